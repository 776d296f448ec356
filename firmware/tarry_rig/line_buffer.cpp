#include "line_buffer.h"

bool LineBuffer::push(uint8_t byte) {
    if (ended_) {
        length_ = 0;
        too_long_ = false;
        ended_ = false;
    }
    if (byte == '\n')
        ended_ = true;
    else if (length_ == frame_limit)
        too_long_ = true;
    else
        text_[length_++] = static_cast<char>(byte);
    return ended_;
}

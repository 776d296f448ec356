#pragma once
#include "frame_writer.h"

// Gathers received bytes into a line.
class LineBuffer {
public:
    // True when `byte` ends a line; the line stays readable until the next byte.
    bool push(uint8_t byte);

    const char *text() const { return text_; }
    uint8_t length() const { return length_; }
    bool too_long() const { return too_long_; }
    bool empty() const { return length_ == 0 && !too_long_; }

private:
    char text_[frame_limit] = {};
    uint8_t length_ = 0;
    bool too_long_ = false;
    bool ended_ = false;
};

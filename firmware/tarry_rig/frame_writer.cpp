#include "frame_writer.h"
#include "crc16.h"

FrameWriter::FrameWriter(char kind) : length_(0) { text_[length_++] = kind; }

FrameWriter &FrameWriter::hex(uint32_t value, uint8_t count) {
    text_[length_++] = ' ';
    digits(value, count);
    return *this;
}

FrameWriter &FrameWriter::tick(const Tick &value) {
    hex(value.wraps, 8);
    digits(value.count, 4);
    return *this;
}

FrameWriter &FrameWriter::bytes(const uint8_t *values, uint8_t count) {
    text_[length_++] = ' ';
    for (uint8_t i = 0; i < count; i++)
        digits(values[i], 2);
    return *this;
}

FrameWriter &FrameWriter::letter(char value) {
    text_[length_++] = ' ';
    text_[length_++] = value;
    return *this;
}

FrameWriter &FrameWriter::word(const char *value) {
    text_[length_++] = ' ';
    while (*value)
        text_[length_++] = *value++;
    return *this;
}

void FrameWriter::finish() {
    const uint16_t crc = crc16(text_, length_);
    text_[length_++] = '*';
    digits(crc, 4);
    text_[length_++] = '\n';
}

void FrameWriter::digits(uint32_t value, uint8_t count) {
    for (uint8_t i = count; i > 0; i--) {
        text_[length_ + i - 1] = "0123456789abcdef"[value & 0xf];
        value >>= 4;
    }
    length_ = static_cast<uint8_t>(length_ + count);
}

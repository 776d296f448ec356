#pragma once
#include "tick.h"

constexpr uint8_t frame_limit = 80;

// Builds one frame: kind, fields, checksum, line feed.
class FrameWriter {
public:
    explicit FrameWriter(char kind);
    FrameWriter &hex(uint32_t value, uint8_t digits);
    FrameWriter &tick(const Tick &value);
    // One field of two digits a byte.
    FrameWriter &bytes(const uint8_t *values, uint8_t count);
    FrameWriter &letter(char value);
    FrameWriter &word(const char *value);
    void finish();

    const char *text() const { return text_; }
    uint8_t length() const { return length_; }

private:
    void digits(uint32_t value, uint8_t count);

    char text_[frame_limit + 1];
    uint8_t length_;
};

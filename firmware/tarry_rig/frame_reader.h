#pragma once
#include <stdint.h>

// Checks one received line and hands out its fields in order.
class FrameReader {
public:
    // The line without its line feed; it must outlive the reader.
    FrameReader(const char *line, uint8_t length);

    // Printable, with a checksum that is right, and at least a kind.
    bool sound() const { return sound_; }
    char kind() const { return line_[0]; }

    bool hex(uint8_t digits, uint32_t &value);
    bool letters(uint8_t count, const char *&start);
    bool at_end() const { return position_ == end_; }

private:
    bool separator();

    const char *line_;
    uint8_t end_;
    uint8_t position_;
    bool sound_;
};

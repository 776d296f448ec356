#include "frame_reader.h"
#include "crc16.h"

namespace {

constexpr uint8_t checksum_length = 5;

bool digit_value(char digit, uint8_t &value) {
    if (digit >= '0' && digit <= '9')
        value = static_cast<uint8_t>(digit - '0');
    else if (digit >= 'a' && digit <= 'f')
        value = static_cast<uint8_t>(digit - 'a' + 10);
    else
        return false;
    return true;
}

bool parse_hex(const char *text, uint8_t digits, uint32_t &value) {
    value = 0;
    for (uint8_t i = 0; i < digits; i++) {
        uint8_t digit;
        if (!digit_value(text[i], digit))
            return false;
        value = (value << 4) | digit;
    }
    return true;
}

bool printable(const char *line, uint8_t length) {
    for (uint8_t i = 0; i < length; i++)
        if (line[i] < 0x20 || line[i] > 0x7e)
            return false;
    return true;
}

}

FrameReader::FrameReader(const char *line, uint8_t length) : line_(line), end_(0), position_(1), sound_(false) {
    if (length <= checksum_length || !printable(line, length) || line[length - checksum_length] != '*')
        return;
    end_ = static_cast<uint8_t>(length - checksum_length);
    uint32_t expected;
    sound_ = parse_hex(line + end_ + 1, 4, expected) && crc16(line, end_) == expected;
}

bool FrameReader::hex(uint8_t digits, uint32_t &value) {
    if (!separator() || end_ - position_ < digits || !parse_hex(line_ + position_, digits, value))
        return false;
    position_ = static_cast<uint8_t>(position_ + digits);
    return true;
}

bool FrameReader::letters(uint8_t count, const char *&start) {
    if (!separator() || end_ - position_ < count)
        return false;
    start = line_ + position_;
    for (uint8_t i = 0; i < count; i++)
        if (start[i] < 'a' || start[i] > 'z')
            return false;
    position_ = static_cast<uint8_t>(position_ + count);
    return true;
}

bool FrameReader::separator() {
    if (position_ >= end_ || line_[position_] != ' ')
        return false;
    position_++;
    return true;
}

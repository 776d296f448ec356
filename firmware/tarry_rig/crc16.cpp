#include "crc16.h"

uint16_t crc16(const char *bytes, uint8_t length) {
    uint16_t crc = 0xffff;
    for (uint8_t i = 0; i < length; i++) {
        crc ^= static_cast<uint16_t>(static_cast<uint8_t>(bytes[i])) << 8;
        for (uint8_t bit = 0; bit < 8; bit++)
            crc = static_cast<uint16_t>((crc & 0x8000) ? (crc << 1) ^ 0x1021 : crc << 1);
    }
    return crc;
}

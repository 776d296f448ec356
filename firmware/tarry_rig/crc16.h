#pragma once
#include <stdint.h>

// CRC-16/IBM-3740 of docs/protocol.md; the check value of "123456789" is 29b1.
uint16_t crc16(const char *bytes, uint8_t length);

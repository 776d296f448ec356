#include "converter.h"
#include "board.h"

namespace {

// Left to itself the compiler makes calls of these, which cost several times what they do.
#define INLINE __attribute__((always_inline)) inline

INLINE void set(uint8_t bit) { CONVERTER_PORT |= static_cast<uint8_t>(_BV(bit)); }
INLINE void clear(uint8_t bit) { CONVERTER_PORT &= static_cast<uint8_t>(~_BV(bit)); }

INLINE void write_bit(uint8_t bit) {
    clear(CONVERTER_DATA_BIT);
    if (bit)
        set(CONVERTER_DATA_BIT);
    set(CONVERTER_CLOCK_BIT);
    clear(CONVERTER_CLOCK_BIT);
}

// Not a loop, for each turn of it would cost as much again as a bit.
void write_byte(uint8_t byte) {
    write_bit(byte & 0x80);
    write_bit(byte & 0x40);
    write_bit(byte & 0x20);
    write_bit(byte & 0x10);
    write_bit(byte & 0x08);
    write_bit(byte & 0x04);
    write_bit(byte & 0x02);
    write_bit(byte & 0x01);
}

}

void converter_start() {
    set(CONVERTER_SELECT_BIT);
    clear(CONVERTER_CLOCK_BIT);
    CONVERTER_DDR |= static_cast<uint8_t>(_BV(CONVERTER_SELECT_BIT) | _BV(CONVERTER_CLOCK_BIT) | _BV(CONVERTER_DATA_BIT));
}

// By program and not by the controller's SPI, whose pins lie on the port of the input capture on one of the boards.
void converter_write(uint16_t level) {
    const uint16_t word = static_cast<uint16_t>(0x3000 | (level >> 4));
    clear(CONVERTER_SELECT_BIT);
    write_byte(static_cast<uint8_t>(word >> 8));
    write_byte(static_cast<uint8_t>(word));
    set(CONVERTER_SELECT_BIT);
}

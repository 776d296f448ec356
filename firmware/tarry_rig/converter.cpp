#include "converter.h"
#include "board.h"

namespace {

void set(uint8_t bit) { CONVERTER_PORT |= static_cast<uint8_t>(_BV(bit)); }
void clear(uint8_t bit) { CONVERTER_PORT &= static_cast<uint8_t>(~_BV(bit)); }

}

void converter_start() {
    set(CONVERTER_SELECT_BIT);
    clear(CONVERTER_CLOCK_BIT);
    CONVERTER_DDR |= static_cast<uint8_t>(_BV(CONVERTER_SELECT_BIT) | _BV(CONVERTER_CLOCK_BIT) | _BV(CONVERTER_DATA_BIT));
}

// By program and not by the controller's SPI, whose pins lie on the port of the input capture on one of the boards.
void converter_write(uint16_t level) {
    uint16_t word = static_cast<uint16_t>(0x3000 | (level >> 4));
    clear(CONVERTER_SELECT_BIT);
    for (uint8_t i = 0; i < 16; i++) {
        if (word & 0x8000)
            set(CONVERTER_DATA_BIT);
        else
            clear(CONVERTER_DATA_BIT);
        set(CONVERTER_CLOCK_BIT);
        word = static_cast<uint16_t>(word << 1);
        clear(CONVERTER_CLOCK_BIT);
    }
    set(CONVERTER_SELECT_BIT);
}

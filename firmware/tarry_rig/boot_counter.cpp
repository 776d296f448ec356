#include "boot_counter.h"
#include <avr/eeprom.h>

namespace {

// A cell bears 100,000 writes (datasheet); with the boots spread over 32 places the 16-bit counter wraps first.
constexpr uint8_t places = 32;

struct Place {
    uint16_t boot;
    uint16_t inverse;   // tells a written place from a fresh or a half-written one
};

// At the end of the EEPROM, where a sketch that was on the board before is least likely to have kept anything.
Place *place(uint8_t index) { return reinterpret_cast<Place *>(E2END + 1 - places * sizeof(Place)) + index; }

bool read_place(uint8_t index, uint16_t &boot) {
    Place read;
    eeprom_read_block(&read, place(index), sizeof read);
    boot = read.boot;
    return static_cast<uint16_t>(~read.inverse) == read.boot && read.boot % places == index;
}

uint16_t newest() {
    uint16_t latest = 0;
    bool found = false;
    for (uint8_t i = 0; i < places; i++) {
        uint16_t boot;
        if (read_place(i, boot) && (!found || static_cast<int16_t>(boot - latest) > 0)) {
            latest = boot;
            found = true;
        }
    }
    return latest;
}

}

uint16_t boot_counter_raise() {
    const uint16_t boot = static_cast<uint16_t>(newest() + 1);
    const Place written = {boot, static_cast<uint16_t>(~boot)};
    eeprom_update_block(&written, place(boot % places), sizeof written);
    eeprom_busy_wait();
    return boot;
}

#include "reset_cause.h"
#include <avr/io.h>
#include <avr/wdt.h>

static uint8_t saved __attribute__((section(".noinit")));

// Before main: after a watchdog reset the watchdog stays on, with its shortest time.
extern "C" void save_reset_cause() __attribute__((naked, used, section(".init3")));
extern "C" void save_reset_cause() {
    saved = MCUSR;
    MCUSR = 0;
    wdt_disable();
}

uint8_t reset_cause() {
    // Power-on sets other bits too, so it goes first; the masks are the ones of the frame.
    const uint8_t order[] = {_BV(PORF), _BV(WDRF), _BV(BORF), _BV(EXTRF)};
    for (uint8_t cause : order)
        if (saved & cause)
            return cause;
    return 0;
}

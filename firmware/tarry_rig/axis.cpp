#include "axis.h"
#include "axis_ramp.h"
#include "clock.h"
#include "converter.h"
#include <avr/interrupt.h>
#include <util/atomic.h>

// A stair costs some 300 ticks with its interrupt; the receiver, whose bytes come every 320 ticks at 8 MHz, must not wait for longer.
static constexpr uint16_t stair_ticks = 1024;

// The emulator (simavr) leaves out a match in the first ticks of the timer's round, and the stair would come a whole round late. At most a
// microsecond later it still holds within half a stair.
static constexpr uint16_t first_match = 8;

static bool converting;
static uint16_t low;
static AxisRamp ramp;
static uint16_t due;

static bool is_due() { return static_cast<int16_t>(TCNT1 - due) >= 0; }

static void climb() {
    do {
        converter_write(ramp.next());
        if (ramp.done()) {
            TIMSK1 &= static_cast<uint8_t>(~_BV(OCIE1A));
            return;
        }
        due = static_cast<uint16_t>(due + stair_ticks);
        OCR1A = due < first_match ? first_match : due;
        // A match that has passed already would come again only after the timer's next round.
    } while (is_due());
}

void axis_configure(const Parameters &parameters) {
    const uint16_t high = static_cast<uint16_t>(parameters[Parameter::ahig]);
    low = static_cast<uint16_t>(parameters[Parameter::alow]);
    // No press is armed now, so nothing climbs.
    ramp.configure(low, high, parameters[Parameter::ramp] * ticks_per_microsecond, stair_ticks);
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE) {
        converting = static_cast<Actuator>(parameters[Parameter::acti]) == Actuator::converter;
        if (converting) {
            converter_start();
            converter_write(low);
        }
    }
}

Tick axis_level(uint16_t level) {
    Tick taken;
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE) {
        converter_start();
        converter_write(level);
        taken = clock_now_in_interrupt();
    }
    return taken;
}

void axis_press(uint16_t pressed_at) {
    if (!converting)
        return;
    ramp.begin();
    due = pressed_at;
    climb();
    if (!ramp.done())
        TIMSK1 |= _BV(OCIE1A);
}

void axis_release() {
    if (!converting)
        return;
    TIMSK1 &= static_cast<uint8_t>(~_BV(OCIE1A));
    converter_write(low);
}

ISR(TIMER1_COMPA_vect) {
    // The timer matched OCR1A on its rounds while no ramp was on; that flag is still up when the ramp begins.
    if (is_due())
        climb();
}

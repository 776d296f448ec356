#include "press.h"
#include "axis.h"
#include "board.h"
#include "clock.h"
#include "readings.h"
#include "reference_device.h"
#include "response.h"
#include "wake.h"
#include <avr/interrupt.h>
#include <util/atomic.h>

static bool armed;
static uint32_t armed_for;
static bool happened;
static Press latest;

// The pin changes this many ticks after the timer is read: two instructions of two cycles, of which the first reads in
// its second cycle and the other writes in its second (instruction timing of the ATmega datasheets).
constexpr uint8_t ticks_from_count_to_pin = 2;

static uint16_t count_and_set_pin() {
    uint16_t count;
    asm volatile("lds %A0, %1\n\t"
                 "sbi %2, %3\n\t"
                 "lds %B0, %1+1\n\t"
                 : "=&r"(count)
                 : "n"(_SFR_MEM_ADDR(TCNT1)), "I"(_SFR_IO_ADDR(PRESS_PORT)), "I"(PRESS_BIT)
                 : "memory");
    return count;
}

static void press_now() {
    armed = false;
    latest.line_active = response_line_active();
    latest.stray_edge = response_take_edges().count != 0;
    const uint16_t count = count_and_set_pin();
    reference_press(true);
    axis_press(static_cast<uint16_t>(count + ticks_from_count_to_pin));
    latest.at = clock_extend(count);
    latest.at.count = static_cast<uint16_t>(latest.at.count + ticks_from_count_to_pin);
    if (latest.at.count < ticks_from_count_to_pin)
        latest.at.wraps++;
    happened = true;
    wake();
}

void press_setup() {
    press_release();
    PRESS_DDR |= _BV(PRESS_BIT);
}

void press_arm(uint32_t due) {
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE) {
        if (!happened) {
            OCR1B = static_cast<uint16_t>(due);
            armed_for = due;
            armed = true;
            if (reached(clock_now_in_interrupt().low(), due))
                press_now();
        }
    }
}

void press_disarm() {
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE) { armed = false; }
}

bool press_happened(Press &press) {
    bool news;
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE) {
        news = happened;
        happened = false;
        press = latest;
    }
    return news;
}

void press_release() {
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE) {
        PRESS_PORT &= static_cast<uint8_t>(~_BV(PRESS_BIT));
        axis_release();
        reference_press(false);
    }
}

ISR(TIMER1_COMPB_vect) {
    if (armed && reached(clock_now_in_interrupt().low(), armed_for))
        press_now();
    readings_alarm();
    wake();
}

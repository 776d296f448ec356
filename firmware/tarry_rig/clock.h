#pragma once
#include "tick.h"
#include <avr/io.h>

// Timer 1 without prescaler, extended to 48 bits.

constexpr uint32_t ticks_per_second = F_CPU;
constexpr uint32_t ticks_per_microsecond = F_CPU / 1000000;

void clock_start();
Tick clock_now();

extern volatile uint32_t clock_wraps;

// For callers that have interrupts off: the full count of a timer value read or captured less than 2 ms ago.
inline Tick clock_extend(uint16_t count) {
    Tick tick = {clock_wraps, count};
    // A wrap that has happened but is not counted yet belongs to small values only: larger ones were read before it.
    if ((TIFR1 & _BV(TOV1)) && count < 0x8000)
        tick.wraps++;
    return tick;
}

inline Tick clock_now_in_interrupt() { return clock_extend(TCNT1); }

// Wakes the loop at `due`, or at once if that has passed.
void clock_alarm(uint32_t due);

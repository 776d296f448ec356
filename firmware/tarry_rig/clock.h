#pragma once
#include "tick.h"

// Timer 1 without prescaler, extended to 48 bits.

constexpr uint32_t ticks_per_second = F_CPU;
constexpr uint32_t ticks_per_microsecond = F_CPU / 1000000;

void clock_start();
Tick clock_now();
// For callers that have interrupts off: the full count of a timer value read or captured less than 2 ms ago.
Tick clock_extend(uint16_t count);
Tick clock_now_in_interrupt();
// Wakes the loop at `due`, or at once if that has passed.
void clock_alarm(uint32_t due);

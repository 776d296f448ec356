#pragma once
#include <stdint.h>

// The 48-bit count of the protocol: a 16-bit timer and the number of times it has wrapped.
struct Tick {
    uint32_t wraps;
    uint16_t count;

    // Enough for every interval here: 60 s is 960,000,000 ticks at 16 MHz.
    uint32_t low() const { return (wraps << 16) | count; }
};

// Whether `now` is at or after `due`, for instants less than 2^31 ticks apart.
inline bool reached(uint32_t now, uint32_t due) { return static_cast<int32_t>(now - due) >= 0; }

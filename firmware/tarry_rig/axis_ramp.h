#pragma once
#include <stdint.h>

// The levels of a straight ramp as a staircase. Each stair holds the ramp's mean over its own time, so that the staircase
// crosses any level within half a stair of the ramp; after the last stair comes the end.
class AxisRamp {
public:
    void begin(uint16_t from, uint16_t to, uint16_t stairs);
    bool done() const { return done_; }
    // The next level; when done the end.
    uint16_t next();

private:
    static constexpr uint8_t fraction_bits = 15;   // 65535 with these still fits a signed 32-bit number

    uint32_t level_ = 0;
    uint32_t rise_ = 0;   // modulo 2^32 when it falls
    uint16_t left_ = 0;
    uint16_t to_ = 0;
    bool done_ = true;
};

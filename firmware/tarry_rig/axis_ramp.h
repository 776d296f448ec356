#pragma once
#include <stdint.h>

// The levels of a straight ramp as a staircase. Each stair holds the ramp's mean over its own time, so that the staircase
// crosses any level within half a stair of the ramp; the end comes in place of a last stair that the ramp does not fill.
class AxisRamp {
public:
    // Divides, which takes the controller a while: before a run.
    void configure(uint16_t from, uint16_t to, uint32_t duration, uint16_t stair);
    void begin();
    bool done() const { return done_; }
    // The next level; when done the end.
    uint16_t next();

private:
    // With 16 bits of fraction, modulo 2^32: a ramp that falls rises by nearly 2^32.
    uint32_t first_ = 0;
    uint32_t level_ = 0;
    uint32_t rise_ = 0;
    uint16_t stairs_ = 0;
    uint16_t left_ = 0;
    uint16_t to_ = 0;
    bool done_ = true;
};

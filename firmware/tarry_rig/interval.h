#pragma once
#include <stdint.h>

// Draws the time from press to press: xorshift32, scaled by the upper half of a 64-bit product.
class IntervalGenerator {
public:
    explicit IntervalGenerator(uint32_t seed) : state_(seed) {}
    // Uniform from shortest to longest, both included.
    uint32_t draw(uint32_t shortest, uint32_t longest);

private:
    uint32_t state_;
};

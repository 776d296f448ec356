#pragma once
#include "clock.h"
#include "parameters.h"

// The times of a run, in ticks.
struct Timing {
    uint32_t shortest;
    uint32_t longest;
    uint32_t hold;
    uint32_t time_out;
    uint32_t rearm;
    uint32_t soonest;
};

inline Timing timing_of(const Parameters &parameters) {
    const auto ticks = [&](Parameter parameter) { return parameters[parameter] * ticks_per_microsecond; };
    return {ticks(Parameter::imin), ticks(Parameter::imax), ticks(Parameter::hold),
            ticks(Parameter::tout), ticks(Parameter::rear), ticks(Parameter::emin)};
}

inline uint32_t longer(uint32_t a, uint32_t b) { return a > b ? a : b; }

#pragma once
#include "tick.h"

// Bits of a trial's flags.
enum : uint8_t {
    flag_bounce = 0x01,
    flag_active_at_press = 0x02,
    flag_stray_edge = 0x04,
    flag_waited_for_host = 0x08,
};

struct Trial {
    Tick press;
    uint32_t latency;   // ticks; meaningless for a miss
    char outcome;       // r, m, e
    uint8_t flags;
    uint8_t edges;
};

// Counts of one run.
struct RunCounts {
    uint32_t responses;
    uint32_t missed;
    uint32_t early;

    uint32_t total() const { return responses + missed + early; }
};

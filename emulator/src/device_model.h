#pragma once
#include "options.h"
#include "random_source.h"
#include <string>
#include <vector>

// The device under test: when it answers a press, in microseconds.
class DeviceModel {
public:
    struct Answer {
        std::string kind;                // response, late or missed
        double latency_us = 0;           // without meaning if missed
        std::vector<double> bounce_us;   // rising instants after the first, from the press
    };

    DeviceModel(const DeviceOptions &options, std::uint64_t seed);
    Answer press(double at_us);
    double release_us() const { return options_.fixed_us; }

private:
    double wait_for_slot(double at_us) const;

    DeviceOptions options_;
    RandomSource random_;
    double phase_us_;
};

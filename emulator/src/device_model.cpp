#include "device_model.h"
#include <algorithm>
#include <cmath>

namespace {

// Nothing answers before the press.
constexpr double soonest_us = 1;

}

DeviceModel::DeviceModel(const DeviceOptions &options, std::uint64_t seed)
    : options_(options), random_(seed), phase_us_(random_.uniform() * options.slot_us) {}

DeviceModel::Answer DeviceModel::press(double at_us) {
    Answer answer;
    answer.kind = "response";
    answer.latency_us = options_.fixed_us + wait_for_slot(at_us) + options_.noise_us * random_.normal();
    if (random_.chance(options_.late_share)) {
        answer.kind = "late";
        answer.latency_us += options_.late_us;
    }
    if (random_.chance(options_.miss_share)) {
        answer.kind = "missed";
        return answer;
    }
    answer.latency_us = std::max(answer.latency_us, soonest_us);
    // Each edge falls into the middle half of its own share of the time, so that no two come together.
    const double share = options_.bounce == 0 ? 0 : options_.bounce_us / options_.bounce;
    for (unsigned i = 0; i < options_.bounce; i++)
        answer.bounce_us.push_back(answer.latency_us + share * (i + 0.25 + 0.5 * random_.uniform()));
    return answer;
}

double DeviceModel::wait_for_slot(double at_us) const {
    if (options_.slot_us == 0)
        return 0;
    const double slots = std::ceil((at_us - phase_us_) / options_.slot_us);
    return phase_us_ + slots * options_.slot_us - at_us;
}

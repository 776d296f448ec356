#include "interval.h"

uint32_t IntervalGenerator::draw(uint32_t shortest, uint32_t longest) {
    state_ ^= state_ << 13;
    state_ ^= state_ >> 17;
    state_ ^= state_ << 5;
    const uint32_t width = longest - shortest + 1;
    return shortest + static_cast<uint32_t>((static_cast<uint64_t>(state_) * width) >> 32);
}

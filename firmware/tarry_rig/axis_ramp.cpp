#include "axis_ramp.h"

void AxisRamp::begin(uint16_t from, uint16_t to, uint16_t stairs) {
    const int32_t height = static_cast<int32_t>(to) - from;
    to_ = to;
    left_ = stairs;
    const int32_t rise = stairs == 0 ? 0 : height * (1L << fraction_bits) / stairs;
    rise_ = static_cast<uint32_t>(rise);
    level_ = (static_cast<uint32_t>(from) << fraction_bits) + static_cast<uint32_t>(rise / 2);
    done_ = false;
}

uint16_t AxisRamp::next() {
    if (left_ == 0) {
        done_ = true;
        return to_;
    }
    const uint16_t level = static_cast<uint16_t>(level_ >> fraction_bits);
    level_ += rise_;
    left_--;
    return level;
}

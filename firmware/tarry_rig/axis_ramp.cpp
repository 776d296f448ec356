#include "axis_ramp.h"

void AxisRamp::configure(uint16_t from, uint16_t to, uint32_t duration, uint16_t stair) {
    to_ = to;
    done_ = true;
    stairs_ = static_cast<uint16_t>(duration / stair);
    if (stairs_ == 0)
        return;
    const bool rises = to > from;
    const uint32_t height = static_cast<uint32_t>(rises ? to - from : from - to) << 16;
    const uint32_t step = static_cast<uint32_t>(static_cast<uint64_t>(height) * stair / duration);
    first_ = static_cast<uint32_t>(from) << 16;
    first_ = rises ? first_ + step / 2 : first_ - step / 2;
    rise_ = rises ? step : 0 - step;
}

void AxisRamp::begin() {
    level_ = first_;
    left_ = stairs_;
    done_ = false;
}

uint16_t AxisRamp::next() {
    if (left_ == 0) {
        done_ = true;
        return to_;
    }
    const uint16_t level = static_cast<uint16_t>(level_ >> 16);
    level_ += rise_;
    left_--;
    return level;
}

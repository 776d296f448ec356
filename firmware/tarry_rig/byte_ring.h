#pragma once
#include <stdint.h>

// A queue between an interrupt and the loop: one side puts, the other takes. Its indexes wrap by themselves.
class ByteRing {
public:
    uint8_t room() const { return static_cast<uint8_t>(0xff - used()); }
    uint8_t used() const { return static_cast<uint8_t>(head_ - tail_); }
    bool put(uint8_t byte) {
        if (used() == 0xff)
            return false;
        bytes_[head_] = byte;
        head_ = static_cast<uint8_t>(head_ + 1);
        return true;
    }
    bool take(uint8_t &byte) {
        if (used() == 0)
            return false;
        byte = bytes_[tail_];
        tail_ = static_cast<uint8_t>(tail_ + 1);
        return true;
    }

private:
    volatile uint8_t bytes_[256];
    volatile uint8_t head_ = 0;
    volatile uint8_t tail_ = 0;
};

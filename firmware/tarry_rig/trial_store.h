#pragma once
#include "trial.h"

// The last trials by sequence number, until the host has them safe.
class TrialStore {
public:
    static constexpr uint8_t capacity = 24;

    // Empties the store; the next trial will be `first`.
    void begin(uint32_t first);
    void add(const Trial &trial);
    // A number never made, or one passed already, changes nothing.
    void acknowledge(uint32_t sequence);

    uint32_t last() const { return last_; }
    uint8_t unacknowledged() const { return static_cast<uint8_t>(last_ - acknowledged_); }
    bool full() const { return unacknowledged() == capacity; }
    bool holds(uint32_t from, uint8_t count) const;
    const Trial &at(uint32_t sequence) const { return trials_[sequence % capacity]; }

private:
    Trial trials_[capacity] = {};
    uint32_t last_ = 0;
    uint32_t acknowledged_ = 0;
    uint8_t held_ = 0;
};

#include "trial_store.h"

void TrialStore::begin(uint32_t first) {
    last_ = first - 1;
    acknowledged_ = last_;
    held_ = 0;
}

void TrialStore::add(const Trial &trial) {
    last_++;
    trials_[last_ % capacity] = trial;
    if (held_ < capacity)
        held_++;
}

void TrialStore::acknowledge(uint32_t sequence) {
    if (sequence > acknowledged_ && sequence <= last_)
        acknowledged_ = sequence;
}

bool TrialStore::holds(uint32_t from, uint8_t count) const {
    return from <= last_ && last_ - from < held_ && count <= last_ - from + 1;
}

#pragma once
#include "press.h"
#include "timing.h"
#include "trial.h"

// A trial from its press to the end of its re-arm time.
class TrialInFlight {
public:
    void begin(const Press &press);
    // Releases the contact and decides the outcome when it is time; true when the trial is over.
    bool step(uint32_t now, const Timing &timing);
    // Once, when it is over.
    Trial finish(bool waited_for_host);

    uint32_t pressed_at() const { return press_.at.low(); }
    // After finish: when the line will have been quiet for long enough.
    uint32_t quiet_at(const Timing &timing) const;

private:
    void decide(uint32_t elapsed, const Timing &timing);
    uint32_t end(const Timing &timing) const;

    Press press_ = {};
    bool released_ = false;
    bool decided_ = false;
    char outcome_ = 'e';
    uint32_t latency_ = 0;
    // As ticks after the press.
    uint32_t decided_after_ = 0;
    uint32_t last_edge_after_ = 0;
};

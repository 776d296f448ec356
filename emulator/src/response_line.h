#pragma once
#include "machine.h"
#include "options.h"
#include <map>

// Drives what the rig watches: a logic level, the voltage of a light sensor, or a line on stdout for a host that echoes.
class ResponseLine {
public:
    ResponseLine(Machine &machine, ResponseKind kind, bool active_low);

    void change_at(std::uint64_t instant, bool active);
    // A reset controller has forgotten its inputs.
    void apply_again();
    // The voltage that the low-pass makes of the threshold's PWM.
    void follow_threshold();
    // Called after a report has been printed.
    std::function<void()> on_report;

private:
    void next_change();
    void apply();
    void schedule();

    Machine &machine_;
    ResponseKind kind_;
    bool active_low_;
    bool active_ = false;
    std::uint64_t reports_ = 0;
    int threshold_mv_ = -1;
    std::multimap<std::uint64_t, bool> changes_;
    std::function<void()> on_change_;
};

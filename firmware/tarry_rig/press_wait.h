#pragma once
#include "timing.h"

// The time between two trials: the next press comes when its drawn instant is reached, the line has been quiet, and the
// host does not owe an acknowledgement.
class PressWait {
public:
    void begin(uint32_t due, uint32_t quiet_at);
    // Arms the press as soon as nothing stands against it.
    void step(uint32_t now, uint32_t rearm, bool host_owes);
    bool waited_for_host() const { return waited_; }

private:
    void watch_line(uint32_t now, uint32_t rearm);

    // Instants can be compared for 2^31 ticks only, and a host can be away for longer: what was reached is kept.
    uint32_t due_ = 0;
    bool overdue_ = false;
    uint32_t quiet_at_ = 0;
    bool quiet_ = false;
    uint8_t strays_noticed_ = 0;
    bool waited_ = false;
};

#include "press_wait.h"
#include "press.h"
#include "response.h"

void PressWait::begin(uint32_t due, uint32_t quiet_at) {
    *this = PressWait();
    due_ = due;
    quiet_at_ = quiet_at;
}

void PressWait::step(uint32_t now, uint32_t rearm, bool host_owes) {
    overdue_ = overdue_ || reached(now, due_);
    waited_ = waited_ || (overdue_ && host_owes);
    watch_line(now, rearm);
    if (host_owes)
        return;
    if (quiet_)
        press_arm(overdue_ ? now : due_);
    else
        clock_alarm(quiet_at_);
}

void PressWait::watch_line(uint32_t now, uint32_t rearm) {
    const Edges strays = response_edges();
    // The count of edges sticks at 255: a line that never falls quiet gets its press in the end, with its flag.
    if (strays.count != strays_noticed_) {
        strays_noticed_ = strays.count;
        quiet_at_ = strays.last + rearm;
        quiet_ = false;
        press_disarm();
    }
    quiet_ = quiet_ || reached(now, quiet_at_);
}

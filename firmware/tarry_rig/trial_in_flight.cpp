#include "trial_in_flight.h"
#include "response.h"
#include <util/atomic.h>

void TrialInFlight::begin(const Press &press) {
    *this = TrialInFlight();
    press_ = press;
    decided_ = press.line_active;
}

bool TrialInFlight::step(uint32_t now, const Timing &timing) {
    const uint32_t elapsed = now - pressed_at();
    if (!released_ && elapsed >= timing.hold) {
        press_release();
        released_ = true;
    }
    if (!decided_)
        decide(elapsed, timing);
    if (released_ && decided_ && elapsed >= end(timing))
        return true;

    uint32_t next = end(timing);
    if (!decided_ && timing.time_out + 1 < next)
        next = timing.time_out + 1;
    if (!released_ && timing.hold < next)
        next = timing.hold;
    clock_alarm(pressed_at() + next);
    return false;
}

void TrialInFlight::decide(uint32_t elapsed, const Timing &timing) {
    const Edges edges = response_edges();
    const uint32_t first = edges.first - pressed_at();
    if (edges.count != 0 && first <= timing.time_out) {
        outcome_ = first < timing.soonest ? 'e' : 'r';
        latency_ = first;
        decided_after_ = first;
        decided_ = true;
    } else if (edges.count != 0 && !reached(edges.first, pressed_at())) {
        // It came while the press was being made, before the pin changed.
        press_.stray_edge = true;
        decided_ = true;
    } else if (elapsed > timing.time_out) {
        outcome_ = 'm';
        decided_after_ = timing.time_out;
        decided_ = true;
    }
}

Trial TrialInFlight::finish(bool waited_for_host) {
    Edges edges;
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE) { edges = response_take_edges(); }
    if (edges.count != 0 && reached(edges.last, pressed_at()))
        last_edge_after_ = edges.last - pressed_at();
    uint8_t flags = 0;
    if (edges.count > 1)
        flags |= flag_bounce;
    if (press_.line_active)
        flags |= flag_active_at_press;
    if (press_.stray_edge)
        flags |= flag_stray_edge;
    if (waited_for_host)
        flags |= flag_waited_for_host;
    return {press_.at, latency_, outcome_, flags, edges.count};
}

uint32_t TrialInFlight::quiet_at(const Timing &timing) const {
    return pressed_at() + longer(end(timing), last_edge_after_ + timing.rearm);
}

uint32_t TrialInFlight::end(const Timing &timing) const {
    return longer(timing.hold, decided_ ? decided_after_ : timing.time_out) + timing.rearm;
}

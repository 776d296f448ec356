#include "run.h"
#include "clock.h"
#include "interval.h"
#include "press.h"
#include "response.h"
#include <util/atomic.h>

namespace {

enum class State : uint8_t { idle, between, pressed };

State state;
TrialStore trials;
RunCounts counts;
IntervalGenerator intervals(1);
const char *ending;
bool stopping;

// Fixed for a run, in ticks.
uint32_t shortest, longest, hold, time_out, rearm, soonest;
uint32_t trials_left;   // 0 in a run without an end
bool endless;

// Between two trials.
uint32_t due;            // the drawn instant
bool overdue;            // latched: `due` cannot be compared for ever
bool waited;             // it passed while the host owed its acknowledgement
uint32_t quiet_at;
bool quiet;              // latched likewise
uint8_t strays_noticed;

// Within a trial, as ticks after the press.
Press press;
bool released;
bool decided;
char outcome;
uint32_t latency;
uint32_t decided_after;

uint32_t longer(uint32_t a, uint32_t b) { return a > b ? a : b; }

void end_run(const char *reason) {
    state = State::idle;
    ending = reason;
}

void wait_from(uint32_t previous_press, uint32_t quiet_from) {
    state = State::between;
    due = previous_press + intervals.draw(shortest, longest);
    overdue = false;
    waited = false;
    quiet_at = quiet_from;
    quiet = false;
    strays_noticed = 0;
}

void begin_trial() {
    state = State::pressed;
    released = false;
    decided = press.line_active;
    outcome = 'e';
    latency = 0;
    decided_after = 0;
}

void wait_for_quiet(uint32_t now) {
    const Edges strays = response_edges();
    // The count of edges sticks at 255: a line that never falls quiet gets its press in the end, with its flag.
    if (strays.count != strays_noticed) {
        strays_noticed = strays.count;
        quiet_at = strays.last + rearm;
        quiet = false;
        press_disarm();
    }
    quiet = quiet || reached(now, quiet_at);
}

void between_step(uint32_t now) {
    if (press_happened(press)) {
        begin_trial();
        return;
    }
    if (stopping) {
        press_disarm();
        // The press may have come between the two lines above.
        if (press_happened(press))
            begin_trial();
        else
            end_run("stop");
        return;
    }
    overdue = overdue || reached(now, due);
    waited = waited || (overdue && trials.full());
    wait_for_quiet(now);
    if (trials.full())
        return;
    if (quiet)
        press_arm(overdue ? now : due);
    else
        clock_alarm(quiet_at);
}

void decide(uint32_t elapsed, const Edges &edges) {
    const uint32_t first = edges.first - press.at.low();
    if (edges.count != 0 && first <= time_out) {
        outcome = first < soonest ? 'e' : 'r';
        latency = first;
        decided_after = first;
        decided = true;
    } else if (edges.count != 0 && first > 0x7fffffff) {
        // It came while the press was being made, before the pin changed.
        press.stray_edge = true;
        decided = true;
    } else if (elapsed > time_out) {
        outcome = 'm';
        decided_after = time_out;
        decided = true;
    }
}

void finish_trial(uint32_t closed_after) {
    Edges edges;
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE) { edges = response_take_edges(); }
    uint8_t flags = 0;
    if (edges.count > 1)
        flags |= flag_bounce;
    if (press.line_active)
        flags |= flag_active_at_press;
    if (press.stray_edge)
        flags |= flag_stray_edge;
    if (waited)
        flags |= flag_waited_for_host;
    trials.add({press.at, latency, outcome, flags, edges.count});
    if (outcome == 'r')
        counts.responses++;
    else if (outcome == 'm')
        counts.missed++;
    else
        counts.early++;

    const uint32_t pressed_at = press.at.low();
    const uint32_t quiet_from = edges.count == 0
        ? pressed_at + closed_after
        : longer(closed_after, edges.last - pressed_at + rearm) + pressed_at;
    const bool complete = (!endless && --trials_left == 0) || trials.last() == 0xffffffff;
    if (complete)
        end_run("count");
    else if (stopping)
        end_run("stop");
    else
        wait_from(pressed_at, quiet_from);
}

void pressed_step(uint32_t now) {
    const uint32_t elapsed = now - press.at.low();
    if (!released && elapsed >= hold) {
        press_release();
        released = true;
    }
    if (!decided)
        decide(elapsed, response_edges());

    const uint32_t closed_after = longer(hold, decided ? decided_after : time_out) + rearm;
    if (released && decided && elapsed >= closed_after) {
        finish_trial(closed_after);
        return;
    }
    uint32_t next = closed_after;
    if (!decided && time_out + 1 < next)
        next = time_out + 1;
    if (!released && hold < next)
        next = hold;
    clock_alarm(press.at.low() + next);
}

}

void run_begin(const Parameters &parameters) {
    shortest = parameters[Parameter::imin] * ticks_per_microsecond;
    longest = parameters[Parameter::imax] * ticks_per_microsecond;
    hold = parameters[Parameter::hold] * ticks_per_microsecond;
    time_out = parameters[Parameter::tout] * ticks_per_microsecond;
    rearm = parameters[Parameter::rear] * ticks_per_microsecond;
    soonest = parameters[Parameter::emin] * ticks_per_microsecond;
    trials_left = parameters[Parameter::coun];
    endless = trials_left == 0;
    intervals = IntervalGenerator(parameters[Parameter::seed]);
    trials.begin(parameters[Parameter::firs]);
    counts = RunCounts();
    stopping = false;
    response_configure(static_cast<Source>(parameters[Parameter::resp]), parameters[Parameter::pola] != 0,
                       static_cast<uint8_t>(parameters[Parameter::thre]));
    const uint32_t now = clock_now().low();
    wait_from(now, now + rearm);
}

void run_stop() { stopping = state != State::idle; }

void run_step() {
    if (state == State::between)
        between_step(clock_now().low());
    if (state == State::pressed)
        pressed_step(clock_now().low());
}

char run_state() {
    if (state == State::idle)
        return 'i';
    return state == State::between && trials.full() ? 'w' : 'r';
}

TrialStore &run_trials() { return trials; }
const RunCounts &run_counts() { return counts; }
const char *run_ending() { return ending; }
void run_ending_reported() { ending = nullptr; }

#include "run.h"
#include "axis.h"
#include "interval.h"
#include "press.h"
#include "press_wait.h"
#include "response.h"
#include "trial_in_flight.h"

namespace {

enum class State : uint8_t { idle, between, pressed };

State state;
Timing timing;
IntervalGenerator intervals(1);
PressWait wait;
TrialInFlight trial;
TrialStore trials;
RunCounts counts;
uint32_t trials_left;
bool endless;
bool stopping;
const char *ending;

void end_run(const char *reason) {
    state = State::idle;
    ending = reason;
}

void wait_from(uint32_t previous_press, uint32_t quiet_at) {
    state = State::between;
    wait.begin(previous_press + intervals.draw(timing.shortest, timing.longest), quiet_at);
}

void between_step(uint32_t now) {
    if (stopping)
        press_disarm();
    // Asked after disarming, for a press can come until then.
    Press press;
    if (press_happened(press)) {
        state = State::pressed;
        trial.begin(press);
    } else if (stopping) {
        end_run("stop");
    } else {
        wait.step(now, timing.rearm, trials.full());
    }
}

void count(const Trial &finished) {
    if (finished.outcome == 'r')
        counts.responses++;
    else if (finished.outcome == 'm')
        counts.missed++;
    else
        counts.early++;
}

void pressed_step(uint32_t now) {
    if (!trial.step(now, timing))
        return;
    const Trial finished = trial.finish(wait.waited_for_host());
    trials.add(finished);
    count(finished);
    const bool complete = (!endless && --trials_left == 0) || trials.last() == 0xffffffff;
    if (complete)
        end_run("count");
    else if (stopping)
        end_run("stop");
    else
        wait_from(trial.pressed_at(), trial.quiet_at(timing));
}

}

void run_begin(const Parameters &parameters) {
    timing = timing_of(parameters);
    intervals = IntervalGenerator(parameters[Parameter::seed]);
    trials.begin(parameters[Parameter::firs]);
    trials_left = parameters[Parameter::coun];
    endless = trials_left == 0;
    counts = RunCounts();
    stopping = false;
    response_configure(static_cast<Source>(parameters[Parameter::resp]), parameters[Parameter::pola] != 0,
                       static_cast<uint8_t>(parameters[Parameter::thre]));
    axis_configure(parameters);
    const uint32_t now = clock_now().low();
    wait_from(now, now + timing.rearm);
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

#pragma once
#include "parameters.h"
#include "trial_store.h"

// One run: presses at drawn intervals, and what came of each.

void run_begin(const Parameters &parameters);
// Ends after the trial in flight.
void run_stop();
void run_step();

// i, r or w, as the heartbeat says it.
char run_state();
TrialStore &run_trials();
const RunCounts &run_counts();
// `count` or `stop` while the end of the run has not been reported, else null.
const char *run_ending();
void run_ending_reported();

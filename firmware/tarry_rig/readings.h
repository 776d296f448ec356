#pragma once
#include "reading_batches.h"

// The stream of readings: both wipers at a fixed interval, by the converter of the controller.

// Greatest count for the voltage at AREF, or for the board's own supply.
void readings_begin(uint32_t interval_ticks, bool against_supply);
void readings_stop();
// Whether a stream is on, or its end has not been told.
bool readings_busy();
// A stream that was stopped and whose batches are all sent: its end can be told.
bool readings_end_due();
void readings_end_told();
ReadingBatches &readings_batches();
// For callers that have interrupts off: takes the reading that is due, if one is.
void readings_alarm();

#pragma once
#include "board.h"

// The analog comparator in front of the input capture: high while the light sensor is above the threshold.
void comparator_start(uint8_t threshold);
void comparator_stop();
inline bool comparator_high() { return ACSR & _BV(ACO); }

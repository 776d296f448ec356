#pragma once
#include "tick.h"

// The contact: the press pin high lights the optocoupler's LED, which closes it.

struct Press {
    Tick at;
    bool line_active;
    bool stray_edge;
};

void press_setup();
// Presses at `due`, in the timer's interrupt; at once if that has passed. Arming again moves the instant.
void press_arm(uint32_t due);
void press_disarm();
// True once after a press.
bool press_happened(Press &press);
void press_release();

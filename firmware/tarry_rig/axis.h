#pragma once
#include "parameters.h"
#include "tick.h"

// What moves an axis; numbered as the parameter `acti`. The press pin goes high at every press whatever it is: it closes
// a contact, or selects the upper level of an analog switch.
enum class Actuator : uint8_t { contact, analog_switch, converter };

// For the run that begins: puts a converter at its lower level.
void axis_configure(const Parameters &parameters);
// Puts a converter at a level now, outside a run; returns when it took it over.
Tick axis_level(uint16_t level);
// For callers that have interrupts off. `pressed_at` is the timer's count at the press.
void axis_press(uint16_t pressed_at);
void axis_release();

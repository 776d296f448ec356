#pragma once
#include <stdint.h>

// The rig as the input device: a USB gamepad whose button follows the press. Only where the controller's USB is free,
// which it is in the bare build for the ATmega32U4.

#if defined(__AVR_ATmega32U4__) && !defined(ARDUINO)

constexpr bool reference_possible = true;
void reference_attach(bool attached);
// A computer has configured it.
bool reference_ready();
// For callers that have interrupts off.
void reference_press(bool down);
// Answers the computer's requests.
void reference_step();

#else

constexpr bool reference_possible = false;
inline void reference_attach(bool) {}
inline bool reference_ready() { return false; }
inline void reference_press(bool) {}
inline void reference_step() {}

#endif

#pragma once
#include <avr/io.h>

// Set by every interrupt that leaves something for the loop to do. GPIOR0 is set in one uninterruptible instruction.
inline void wake() { GPIOR0 |= _BV(0); }
inline void wake_handled() { GPIOR0 &= static_cast<uint8_t>(~_BV(0)); }
inline bool awake() { return GPIOR0 & _BV(0); }

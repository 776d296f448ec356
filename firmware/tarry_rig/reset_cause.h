#pragma once
#include <stdint.h>

// As the frame B gives it: 01 power-on, 02 reset pin, 04 brown-out, 08 watchdog, 00 unknown (a boot loader ate it).
uint8_t reset_cause();

#pragma once
#include <stdint.h>

// Raises the boot counter in EEPROM and returns it. Call once after a reset.
uint16_t boot_counter_raise();

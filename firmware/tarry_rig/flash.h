#pragma once

// Tables that stay in flash; without this the controller copies them to its RAM at every start.
#if defined(__AVR__)
#include <avr/pgmspace.h>
#else
#include <string.h>
#define PROGMEM
#define memcpy_P memcpy
#endif

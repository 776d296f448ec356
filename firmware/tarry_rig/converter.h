#pragma once
#include <stdint.h>

// A 12-bit digital-to-analog converter on three wires, SPI mode 0, most significant bit first: 4 control bits 0011
// (channel A, gain 1, output on) and 12 bits of level, taken over as the select line goes high.

void converter_start();
// In 1/65535 of the span. Interrupts must be off.
void converter_write(uint16_t level);

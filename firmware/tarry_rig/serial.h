#pragma once
#include <stdint.h>

// The way to and from the host: a UART (serial_uart.cpp) or the board's own USB (serial_usb.cpp).
void serial_setup();
// Moves what an interrupt does not move by itself.
void serial_step();
uint8_t serial_room();
// The host asks for the boot loader, which begins with a watchdog reset.
bool serial_wants_reset();
// Only as much as there is room for.
void serial_write(const char *bytes, uint8_t length);

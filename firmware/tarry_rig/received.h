#pragma once
#include "tick.h"

// Every byte from the host passes here first, where the instant counts: in the receive interrupt, or at the read from
// USB. Called with interrupts off.
void received(uint8_t byte);
void received_lost();

bool received_take(uint8_t &byte);
uint16_t received_lost_count();
// When the line feed of the latest ping came.
Tick received_ping_tick();

#pragma once

// simavr 1.6; its headers are C and warn when read as C++.
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wpedantic"
#include <simavr/sim_avr.h>
#include <simavr/avr_acomp.h>
#include <simavr/avr_adc.h>
#include <simavr/avr_extint.h>
#include <simavr/avr_ioport.h>
#include <simavr/avr_timer.h>
#include <simavr/avr_uart.h>
#include <simavr/avr_usb.h>
#include <simavr/sim_elf.h>
#include <simavr/sim_time.h>
#pragma GCC diagnostic pop

#pragma once
#include <cstdint>
#include <string>

// What the firmware's board.h says of the pins, for the other side of them.
struct Board {
    const char *name;
    const char *mcu;
    std::uint32_t clock_hz;
    char uart;
    char press_port;
    int press_bit;
    char response_port;
    int response_bit;
    std::uint16_t duty_register;   // threshold PWM compare value, data address
    int threshold_input;           // index among simavr's comparator inputs
    char converter_port;
    int converter_select_bit;
    int converter_clock_bit;
    int converter_data_bit;
    unsigned wiper_x_channel;   // of the analog-to-digital converter
    unsigned wiper_y_channel;
};

// Null if there is no such board.
const Board *find_board(const std::string &name);

#pragma once
#include <stdint.h>

// What the reference gamepad says of itself, by the tables of USB 2.0 chapter 9 and HID 1.11 chapters 6 and 7.

struct Bytes {
    const uint8_t *data;
    uint8_t length;
};

constexpr uint8_t control_packet_size = 64;
constexpr uint8_t report_endpoint = 1;
constexpr uint8_t report_packet_size = 8;

// Eight buttons (bit 0 is button 1), X and Y as signed bytes at rest.
struct GamepadReport {
    uint8_t buttons;
    int8_t x;
    int8_t y;
};

enum class Descriptor : uint8_t { device = 1, configuration = 2, string = 3, hid = 0x21, report = 0x22 };

// Nothing (length 0) where there is none.
Bytes usb_descriptor(Descriptor type, uint8_t index);

#pragma once
#include "usb_descriptors.h"

// What the reference gamepad answers to a control request: USB 2.0 chapter 9.4, HID 1.11 chapter 7.

struct SetupPacket {
    uint8_t request_type;
    uint8_t request;
    uint16_t value;
    uint16_t index;
    uint16_t length;
};

struct UsbAnswer {
    enum class Kind : uint8_t { data, done, address, configuration, halt, stall } kind;
    Bytes data;       // data: what to send, already cut to what was asked for
    uint8_t number;   // address, configuration: the new one; halt: 1 set, 0 cleared
};

// What a request can ask about.
struct UsbState {
    uint8_t configuration;
    bool halted;
    GamepadReport report;
};

UsbAnswer usb_answer(const SetupPacket &setup, const UsbState &state);

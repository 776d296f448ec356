#pragma once
#include <cstdint>
#include <string>

enum class ResponseKind { edge, light, echo };
// What the device feels: the press pin, the axis behind a converter, or the rig's own reports as the computer sees them.
enum class InputKind { contact, converter, usb };

struct DeviceOptions {
    double fixed_us = 2000;
    double slot_us = 0;
    double noise_us = 0;
    double late_share = 0;
    double late_us = 0;
    unsigned bounce = 0;
    double bounce_us = 1000;
    double miss_share = 0;
};

// The wipers of a stick: none, one that goes round in a circle, or the converter in the place of the wiper of x.
enum class WiperKind { none, circle, converter };

struct WiperOptions {
    WiperKind kind = WiperKind::none;
    double turn_ms = 1000;
    unsigned aref_mv = 3300;
    std::string truth;
};

struct FaultOptions {
    double garble_share = 0;
    double garble_host_share = 0;
    double drop_share = 0;
    std::uint64_t reboot_at_trial = 0;
    std::uint64_t unplug_at_trial = 0;
    double unplug_for_ms = 1000;
    bool unplug_power = false;
};

struct Options {
    std::string board;
    std::string firmware;
    std::string link;
    std::string truth;
    ResponseKind response = ResponseKind::edge;
    bool active_low = false;
    bool echo_waits = false;
    InputKind input = InputKind::contact;
    unsigned axis_threshold = 32768;
    std::uint64_t seed = 1;
    bool realtime = false;
    double clock_ppm = 0;
    bool reset_on_open = false;
    bool exit_on_close = false;
    DeviceOptions device;
    WiperOptions wiper;
    FaultOptions faults;
};

// Exits with 0 after --help and with 2 on wrong use.
Options parse_options(int argc, char **argv);

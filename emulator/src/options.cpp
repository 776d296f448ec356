#include "options.h"
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <functional>
#include <limits>
#include <map>

namespace {

constexpr char usage[] =
    "usage: tarry-emulator --board BOARD --firmware ELF [options]\n"
    "Runs the rig's firmware behind a pseudo-terminal; the first line on stdout is its path.\n"
    "\n"
    "  --board BOARD          328p-16, 328p-8, 32u4-16 or 32u4-8\n"
    "  --firmware ELF         for example firmware/build/328p-16/tarry_rig.elf\n"
    "  --link PATH            keep a symbolic link to the pseudo-terminal here\n"
    "  --truth FILE           write what was injected, one CSV line a press\n"
    "  --seed N               seed of everything random (1)\n"
    "  --realtime             keep to the wall clock; else as fast as the host reads\n"
    "  --clock-ppm X          the rig's clock runs fast by X parts in a million (with --realtime)\n"
    "  --reset-on-open        opening the port resets the rig, as on boards with that wiring\n"
    "  --exit-on-close        end when the host closes the port\n"
    "\n"
    "The device between the press pin and the response:\n"
    "  --input KIND           what it feels: contact (default), converter (an axis), or usb (reference mode, 32u4 boards):\n"
    "                         then the computer behind it answers a report that says button 1 is down\n"
    "  --axis-threshold N     the axis level, 0..65535, from which it is pressed (32768)\n"
    "  --response KIND        edge (default), light, or echo: prints `report N` on stdout for the host to echo\n"
    "  --echo-waits           with echo: time stands still from the report until the host's byte is there, 20 s at most\n"
    "  --active-low           the response is a falling edge, or darkening\n"
    "  --fixed-us X           fixed delay (2000)\n"
    "  --slot-us X            report interval; a press waits for the next slot (0: none)\n"
    "  --noise-us X           standard deviation of normal noise (0)\n"
    "  --late-share P --late-us X     share of presses that are late, and by how much\n"
    "  --bounce N --bounce-us X       extra edges after the first, and the time they are spread over (0, 1000)\n"
    "  --miss-share P         share of presses without a response\n"
    "\n"
    "The stick whose wipers the rig reads:\n"
    "  --wiper KIND           circle, or converter: what the rig's converter gives back in the place of x\n"
    "  --wiper-turn-ms X      time of one turn of the circle (1000)\n"
    "  --aref-mv N            the voltage at AREF (3300)\n"
    "  --wiper-truth FILE     write every conversion, one CSV line each\n"
    "\n"
    "Faults:\n"
    "  --reboot-at-trial N            a watchdog reset 1 ms after press N\n"
    "  --garble-share P               a bit flipped in this share of the rig's lines\n"
    "  --garble-host-share P          and of the host's\n"
    "  --drop-share P                 a byte lost in this share of lines, both ways\n"
    "  --unplug-at-trial N            the cable comes out 1 ms after press N\n"
    "  --unplug-for-ms M              and is back after M milliseconds (1000)\n"
    "  --unplug-power                 the rig loses its power with the cable\n";

[[noreturn]] void wrong_use(const std::string &message) {
    std::fprintf(stderr, "tarry-emulator: %s; see --help\n", message.c_str());
    std::exit(2);
}

double number(const std::string &name, const std::string &text, double lowest, double highest) {
    char *end = nullptr;
    const double value = std::strtod(text.c_str(), &end);
    if (text.empty() || *end != '\0' || !(value >= lowest && value <= highest))
        wrong_use(name + " wants a number from " + std::to_string(lowest) + " to " + std::to_string(highest) +
                  ", not `" + text + "`");
    return value;
}

InputKind input_kind(const std::string &text) {
    if (text == "contact")
        return InputKind::contact;
    if (text == "converter")
        return InputKind::converter;
    if (text == "usb")
        return InputKind::usb;
    wrong_use("--input is contact, converter or usb, not `" + text + "`");
}

WiperKind wiper_kind(const std::string &text) {
    if (text == "circle")
        return WiperKind::circle;
    if (text == "converter")
        return WiperKind::converter;
    wrong_use("--wiper is circle or converter, not `" + text + "`");
}

ResponseKind response_kind(const std::string &text) {
    if (text == "edge")
        return ResponseKind::edge;
    if (text == "light")
        return ResponseKind::light;
    if (text == "echo")
        return ResponseKind::echo;
    wrong_use("--response is edge, light or echo, not `" + text + "`");
}

}

Options parse_options(int argc, char **argv) {
    Options options;
    std::map<std::string, std::function<void(const std::string &)>> valued;
    std::map<std::string, bool *> switches;

    const auto text = [&](const char *name, std::string &target) {
        valued[name] = [&target](const std::string &value) { target = value; };
    };
    const auto real = [&](const char *name, double &target, double lowest, double highest) {
        valued[name] = [=, &target](const std::string &value) { target = number(name, value, lowest, highest); };
    };
    const auto whole = [&](const char *name, auto &target, double highest) {
        valued[name] = [=, &target](const std::string &value) {
            const double parsed = number(name, value, 0, highest);
            if (parsed != std::floor(parsed))
                wrong_use(std::string(name) + " wants a whole number, not `" + value + "`");
            target = static_cast<std::remove_reference_t<decltype(target)>>(parsed);
        };
    };

    constexpr double minute_us = 60e6;
    constexpr double any = 9e15;   // whole numbers up to here are exact in a double
    text("--board", options.board);
    text("--firmware", options.firmware);
    text("--link", options.link);
    text("--truth", options.truth);
    valued["--response"] = [&](const std::string &value) { options.response = response_kind(value); };
    valued["--input"] = [&](const std::string &value) { options.input = input_kind(value); };
    valued["--wiper"] = [&](const std::string &value) { options.wiper.kind = wiper_kind(value); };
    real("--wiper-turn-ms", options.wiper.turn_ms, 1, 3.6e6);
    whole("--aref-mv", options.wiper.aref_mv, 5000);
    text("--wiper-truth", options.wiper.truth);
    whole("--axis-threshold", options.axis_threshold, 65535);
    whole("--seed", options.seed, any);
    real("--clock-ppm", options.clock_ppm, -100000, 100000);
    real("--fixed-us", options.device.fixed_us, 0, minute_us);
    real("--slot-us", options.device.slot_us, 0, minute_us);
    real("--noise-us", options.device.noise_us, 0, minute_us);
    real("--late-share", options.device.late_share, 0, 1);
    real("--late-us", options.device.late_us, 0, minute_us);
    whole("--bounce", options.device.bounce, 1000);
    real("--bounce-us", options.device.bounce_us, 1, minute_us);
    real("--miss-share", options.device.miss_share, 0, 1);
    real("--garble-share", options.faults.garble_share, 0, 1);
    real("--garble-host-share", options.faults.garble_host_share, 0, 1);
    real("--drop-share", options.faults.drop_share, 0, 1);
    whole("--reboot-at-trial", options.faults.reboot_at_trial, any);
    whole("--unplug-at-trial", options.faults.unplug_at_trial, any);
    real("--unplug-for-ms", options.faults.unplug_for_ms, 0, 3.6e6);
    switches["--active-low"] = &options.active_low;
    switches["--echo-waits"] = &options.echo_waits;
    switches["--realtime"] = &options.realtime;
    switches["--reset-on-open"] = &options.reset_on_open;
    switches["--exit-on-close"] = &options.exit_on_close;
    switches["--unplug-power"] = &options.faults.unplug_power;

    for (int i = 1; i < argc; i++) {
        const std::string name = argv[i];
        if (name == "--help") {
            std::fputs(usage, stdout);
            std::exit(0);
        }
        if (const auto found = switches.find(name); found != switches.end()) {
            *found->second = true;
        } else if (const auto taker = valued.find(name); taker == valued.end()) {
            wrong_use("unknown option `" + name + "`");
        } else if (++i == argc) {
            wrong_use(name + " wants a value");
        } else {
            taker->second(argv[i]);
        }
    }
    if (options.board.empty() || options.firmware.empty())
        wrong_use("--board and --firmware are needed");
    if (options.input == InputKind::usb && options.board.compare(0, 4, "32u4") != 0)
        wrong_use("--input usb is for the 32u4 boards");
    if (options.wiper.kind == WiperKind::converter && options.input != InputKind::converter)
        wrong_use("--wiper converter goes with --input converter");
    if (options.clock_ppm != 0 && !options.realtime)
        wrong_use("--clock-ppm means something only with --realtime");
    if (options.echo_waits && options.response != ResponseKind::echo)
        wrong_use("--echo-waits means something only with --response echo");
    return options;
}

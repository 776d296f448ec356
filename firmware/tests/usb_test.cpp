#include "usb_test.h"
#include "check.h"
#include "report_descriptor.h"
#include "usb_requests.h"
#include <sstream>

namespace {

std::vector<uint8_t> bytes_of(const std::string &hex) {
    std::istringstream text(hex);
    std::vector<uint8_t> bytes;
    for (unsigned byte; text >> std::hex >> byte;)
        bytes.push_back(static_cast<uint8_t>(byte));
    return bytes;
}

std::vector<uint8_t> copy(const Bytes &bytes) { return {bytes.data, bytes.data + bytes.length}; }

std::vector<uint8_t> descriptor(Descriptor type, uint8_t index = 0) { return copy(usb_descriptor(type, index)); }

// The example descriptors of HID 1.11, appendix E.6 (keyboard) and E.10 (mouse).
void test_reader() {
    const ReportLayout keyboard = read_report_descriptor(bytes_of(
        "05 01 09 06 a1 01 05 07 19 e0 29 e7 15 00 25 01 75 01 95 08 81 02 95 01 75 08 81 01 95 05 75 01 05 08 19 01 29 05 "
        "91 02 95 01 75 03 91 01 95 06 75 08 15 00 25 65 05 07 19 00 29 65 81 00 c0"));
    check(keyboard.sound && keyboard.input_bits == 64 && keyboard.fields.size() == 15, "keyboard: 64 bits of input");
    check(keyboard.fields[0].usage == 0x000700e0 && keyboard.fields[7].usage == 0x000700e7, "keyboard: modifiers");
    check(keyboard.fields[8].constant && keyboard.fields[8].size == 8, "keyboard: a constant byte");
    check(!keyboard.fields[9].variable && keyboard.fields[9].highest == 101, "keyboard: an array of keys 0..101");

    const ReportLayout mouse = read_report_descriptor(bytes_of(
        "05 01 09 02 a1 01 09 01 a1 00 05 09 19 01 29 03 15 00 25 01 95 03 75 01 81 02 95 01 75 05 81 01 05 01 09 30 09 31 "
        "15 81 25 7f 75 08 95 02 81 06 c0 c0"));
    check(mouse.sound && mouse.input_bits == 24 && mouse.fields.size() == 6, "mouse: 24 bits of input");
    check(mouse.fields[0].usage == 0x00090001 && mouse.fields[0].application == 0x00010002, "mouse: button 1");
    const InputField &x = mouse.fields[4];
    check(x.usage == 0x00010030 && x.bit == 8 && x.lowest == -127 && x.highest == 127 && x.relative, "mouse: X");

    check(!read_report_descriptor(bytes_of("05 01 09 05 a1 01")).sound, "a collection left open");
    check(!read_report_descriptor(bytes_of("05 01 26 ff")).sound, "an item cut short");
}

void test_report_descriptor() {
    const ReportLayout pad = read_report_descriptor(descriptor(Descriptor::report));
    check(pad.sound && pad.input_bits == 8 * sizeof(GamepadReport), "the report is as long as its descriptor says");
    check(pad.fields.size() == 10, "eight buttons and two axes");
    for (size_t i = 0; i < 8; i++) {
        const InputField &button = pad.fields[i];
        check(button.usage == (0x00090001u + i) && button.bit == i && button.size == 1 && button.lowest == 0 && button.highest == 1
                  && button.variable && !button.constant && !button.relative, "a button, page 09, from button 1");
        check(button.application == 0x00010005, "in an application of page 01, usage 05: gamepad");
    }
    for (unsigned i = 0; i < 2; i++) {
        const InputField &axis = pad.fields[8 + i];
        check(axis.usage == 0x00010030 + i && axis.bit == 8 + 8 * i && axis.size == 8 && axis.lowest == -127
                  && axis.highest == 127 && axis.variable && !axis.relative, "X and Y, absolute");
    }
}

// USB 2.0 tables 9-8, 9-10, 9-12 and 9-13, HID 1.11 section 6.2.1.
void test_tables() {
    const std::vector<uint8_t> device = descriptor(Descriptor::device);
    check(device.size() == 18 && device[0] == 18 && device[1] == 1, "device descriptor");
    check(device[2] == 0x00 && device[3] == 0x02, "USB 2.00");
    check(device[4] == 0 && device[7] == control_packet_size && device[17] == 1, "class by interface, one configuration");

    const std::vector<uint8_t> all = descriptor(Descriptor::configuration);
    check(all[0] == 9 && all[1] == 2 && all[2] + 256 * all[3] == static_cast<int>(all.size()), "configuration and its total length");
    check(all[4] == 1 && all[5] == 1 && (all[7] & 0x80) != 0, "one interface, value 1, reserved bit 7 set");
    std::vector<unsigned> kinds;
    for (size_t at = 0; at < all.size(); at += all[at]) {
        check(all[at] >= 2 && at + all[at] <= all.size(), "a descriptor within the whole");
        kinds.push_back(all[at + 1]);
    }
    check(kinds == std::vector<unsigned>({2, 4, 0x21, 5}), "configuration, interface, HID, endpoint, in this order");
    check(all[9 + 4] == 1 && all[9 + 5] == 3, "one endpoint, class HID");
    const std::vector<uint8_t> hid(all.begin() + 18, all.begin() + 27);
    check(hid == descriptor(Descriptor::hid), "the HID descriptor alone is the same");
    check(hid[2] == 0x11 && hid[3] == 0x01 && hid[6] == 0x22, "HID 1.11, a report descriptor");
    check(hid[7] + 256u * hid[8] == descriptor(Descriptor::report).size(), "of this length");
    const std::vector<uint8_t> endpoint(all.begin() + 27, all.end());
    check(endpoint == bytes_of("07 05 81 03 08 00 01"), "endpoint 1 in, interrupt, 8 bytes, every frame");

    for (uint8_t index : {device[14], device[15]}) {
        const std::vector<uint8_t> text = descriptor(Descriptor::string, index);
        check(text.size() > 2 && text[0] == text.size() && text[1] == 3 && text.size() % 2 == 0, "a string that the device names");
    }
    check(descriptor(Descriptor::string, 0) == bytes_of("04 03 09 04"), "English (United States)");
    check(descriptor(Descriptor::string, 9).empty() && descriptor(Descriptor::configuration, 1).empty(), "no others");
}

UsbAnswer ask(const std::string &setup, const UsbState &state = {}) {
    const std::vector<uint8_t> b = bytes_of(setup);
    const auto word = [&](size_t at) { return static_cast<uint16_t>(b[at] | b[at + 1] << 8); };
    return usb_answer({b[0], b[1], word(2), word(4), word(6)}, state);
}

bool gives(const std::string &setup, const std::string &hex, const UsbState &state = {}) {
    const UsbAnswer answer = ask(setup, state);
    return answer.kind == UsbAnswer::Kind::data && copy(answer.data) == bytes_of(hex);
}

bool stalls(const std::string &setup) { return ask(setup).kind == UsbAnswer::Kind::stall; }

// The requests of an enumeration, as USB 2.0 section 9.4 and HID 1.11 section 7 number them.
void test_answers() {
    using Kind = UsbAnswer::Kind;
    check(gives("80 06 00 01 00 00 08 00", "12 01 00 02 00 00 00 40"), "the first 8 bytes of the device descriptor");
    check(copy(ask("80 06 00 02 00 00 ff 00").data) == descriptor(Descriptor::configuration), "no more than there is");
    check(copy(ask("81 06 00 22 00 00 40 00").data) == descriptor(Descriptor::report), "the report descriptor, of the interface");
    check(stalls("80 06 00 06 00 00 0a 00"), "no device qualifier: full speed only");
    check(stalls("81 06 00 22 01 00 40 00"), "there is no interface 1");
    const UsbAnswer address = ask("00 05 17 00 00 00 00 00");
    check(address.kind == Kind::address && address.number == 0x17, "set address");
    const UsbAnswer configuration = ask("00 09 01 00 00 00 00 00");
    check(configuration.kind == Kind::configuration && configuration.number == 1, "set configuration");
    check(ask("00 09 00 00 00 00 00 00").kind == Kind::configuration && stalls("00 09 02 00 00 00 00 00"), "0 or 1, not 2");
    check(gives("80 08 00 00 00 00 01 00", "01", {1, false, {}}), "get configuration");
    check(gives("80 00 00 00 00 00 02 00", "00 00"), "status of the device");
    check(gives("82 00 00 00 81 00 02 00", "01 00", {1, true, {}}), "status of the halted endpoint");
    const UsbAnswer clear = ask("02 01 00 00 81 00 00 00");
    check(clear.kind == Kind::halt && clear.number == 0 && ask("02 03 00 00 81 00 00 00").number == 1, "clear and set halt");
    check(stalls("02 03 00 00 82 00 00 00"), "there is no endpoint 2");
    check(gives("81 0a 00 00 00 00 01 00", "00") && ask("01 0b 00 00 00 00 00 00").kind == Kind::done, "interface setting 0");
    check(gives("a1 01 00 01 00 00 03 00", "01 00 00", {1, false, {1, 0, 0}}), "get report: button 1 down");
    check(stalls("21 0a 00 00 00 00 00 00"), "no idle rate, which HID 1.11 asks of no gamepad");
    check(stalls("40 01 00 00 00 00 00 00"), "nothing of a maker's own");
}

}

void test_usb() {
    test_reader();
    test_report_descriptor();
    test_tables();
    test_answers();
}

// The firmware's frame code against the golden frames of docs/protocol.md: what it writes is compared byte by byte, what
// it reads is taken apart and compared field by field with the text of the same line.

#include "axis_ramp.h"
#include "command.h"
#include "crc16.h"
#include "frame_reader.h"
#include "interval.h"
#include "line_buffer.h"
#include "parameters.h"
#include "reading_batches.h"
#include "report.h"
#include "trial_store.h"
#include "check.h"
#include "usb_test.h"

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <fstream>
#include <sstream>
#include <string>
#include <vector>

namespace {

std::vector<std::string> blocks(const char *path, const std::string &name) {
    std::ifstream page(path);
    if (!page) {
        std::fprintf(stderr, "%s cannot be read\n", path);
        std::exit(2);
    }
    std::vector<std::string> lines;
    bool inside = false;
    for (std::string line; std::getline(page, line);) {
        if (line.compare(0, 3, "```") == 0)
            inside = line == "```" + name;
        else if (inside)
            lines.push_back(line);
    }
    return lines;
}

std::vector<std::string> fields(const std::string &frame) {
    std::istringstream body(frame.substr(0, frame.find('*')));
    std::vector<std::string> parts;
    for (std::string part; body >> part;)
        parts.push_back(part);
    return parts;
}

uint32_t number(const std::string &text) { return static_cast<uint32_t>(std::stoul(text, nullptr, 16)); }

Tick tick(const std::string &text) {
    return {number(text.substr(0, 8)), static_cast<uint16_t>(number(text.substr(8)))};
}

// Rebuilds a rig frame from its own fields with the code that the rig sends it with.
FrameWriter rebuild(const std::vector<std::string> &f) {
    const uint16_t boot = static_cast<uint16_t>(number(f[1]));
    const uint8_t n = static_cast<uint8_t>(number(f[2].substr(0, 2)));
    switch (f[0][0]) {
    case 'B':
        return greeting_frame(boot, {static_cast<uint8_t>(number(f[3])), number(f[4]), f[6].c_str(), f[7].c_str()});
    case 'T': {
        const Trial trial = {tick(f[3]), f[4] == "-" ? 0 : number(f[4]), f[5][0],
                             static_cast<uint8_t>(number(f[6])), static_cast<uint8_t>(number(f[7]))};
        return trial_frame(boot, number(f[2]), trial);
    }
    case 'P':
        return heartbeat_frame(boot, {tick(f[2]), number(f[3]), f[4][0], static_cast<uint16_t>(number(f[5])),
                                      static_cast<uint16_t>(number(f[6])), static_cast<uint16_t>(number(f[7]))});
    case 'K':
        return ping_frame(boot, n, static_cast<uint16_t>(number(f[3])), tick(f[4]));
    case 'A':
        return done_frame(boot, n, f[3][0]);
    case 'S': {
        ReadingBatch batch = {number(f[2]), tick(f[3]), static_cast<uint16_t>(number(f[4])), static_cast<uint8_t>(f[5].size() / 6), {}};
        for (size_t i = 0; i < f[5].size() / 2; i++)
            batch.readings[i / 3][i % 3] = static_cast<uint8_t>(number(f[5].substr(2 * i, 2)));
        return readings_frame(boot, batch);
    }
    case 'E':
        return stream_over_frame(boot, number(f[2]), static_cast<uint16_t>(number(f[3])));
    case 'V':
        return level_frame(boot, n, static_cast<uint16_t>(number(f[3])), tick(f[4]));
    case 'N':
        return refusal_frame(boot, n, f[3][0], f[4].c_str());
    default: {
        const RunCounts counts = {number(f[3]), number(f[4]), number(f[5])};
        check(counts.total() == number(f[2]), "D: total is the sum of its parts");
        return run_over_frame(boot, counts, f[6].c_str());
    }
    }
}

void test_sent_frames(const char *page) {
    std::string kinds;
    for (const std::string &golden : blocks(page, "golden")) {
        if (golden[0] < 'A' || golden[0] > 'Z')
            continue;
        kinds += golden[0];
        const FrameWriter frame = rebuild(fields(golden));
        check(std::string(frame.text(), frame.length()) == golden + "\n",
              "written " + std::string(frame.text(), frame.length()) + "expected " + golden);
    }
    check(kinds == "BTTTTPKANDSSVE", "the page has every kind that the rig sends: " + kinds);
}

void test_received_frames(const char *page) {
    std::string kinds;
    for (const std::string &golden : blocks(page, "golden")) {
        if (golden[0] < 'a' || golden[0] > 'z')
            continue;
        kinds += golden[0];
        LineBuffer line;
        for (const char byte : golden)
            check(!line.push(static_cast<uint8_t>(byte)), "no line before its line feed");
        check(line.push('\n') && !line.too_long(), "a line at its line feed");

        Command command = Command();
        check(read_command(line.text(), line.length(), command) == Reading::command, "read " + golden);
        const std::vector<std::string> f = fields(golden);
        check(command.kind == golden[0], "kind of " + golden);
        if (command.kind == 'k')
            check(command.value == number(f[1]), "seq of " + golden);
        else
            check(command.n == number(f[1]), "n of " + golden);
        if (command.kind == 'c')
            check(std::string(command.key, 4) == f[2] && command.value == number(f[3]), "setting of " + golden);
        if (command.kind == 'p' || command.kind == 'v')
            check(command.value == number(f[2]), "id of " + golden);
        if (command.kind == 'r')
            check(command.value == number(f[2]) && command.count == number(f[3]), "range of " + golden);

        // CRC-16 finds every error of one bit.
        for (size_t bit = 0; bit < golden.size() * 8; bit++) {
            std::string damaged = golden;
            damaged[bit / 8] = static_cast<char>(damaged[bit / 8] ^ (1 << (bit % 8)));
            check(read_command(damaged.data(), static_cast<uint8_t>(damaged.size()), command) == Reading::damaged,
                  "a flipped bit is seen: " + damaged);
        }
    }
    check(kinds == "hcccccgkprxcccccccsv", "the page has every kind that the rig reads: " + kinds);
}

void test_bad_frames(const char *page) {
    int refused = 0;
    for (const std::string &entry : blocks(page, "bad")) {
        size_t frame_end = entry.find('*');
        const bool without_checksum = frame_end == std::string::npos;
        frame_end = without_checksum ? entry.find(" no checksum") : frame_end + 5;
        const std::string frame = entry.substr(0, frame_end);
        const std::string reason = entry.substr(frame_end + 1);
        const FrameReader reader(frame.data(), static_cast<uint8_t>(frame.size()));
        const bool checksum_is_bad = reason.find("checksum") != std::string::npos;
        check(reader.sound() != checksum_is_bad, entry);
        Command command = Command();
        check(read_command(frame.data(), static_cast<uint8_t>(frame.size()), command) != Reading::command, entry);
        refused++;
    }
    check(refused > 10, "the page lists bad frames");
}

std::string framed(const std::string &body) {
    char checksum[8];
    std::snprintf(checksum, sizeof checksum, "*%04x", crc16(body.data(), static_cast<uint8_t>(body.size())));
    return body + checksum;
}

Reading read(const std::string &body) {
    const std::string frame = framed(body);
    Command command = Command();
    return read_command(frame.data(), static_cast<uint8_t>(frame.size()), command);
}

void test_forms() {
    check(read("z 05") == Reading::unknown_kind, "unknown kind with a number");
    check(read("z") == Reading::damaged, "unknown kind without a number");
    check(read("c 02 imin 0001117") == Reading::wrong_form, "value too short");
    check(read("c 02 imin 000111700") == Reading::wrong_form, "value too long");
    check(read("c 02 IMIN 00011170") == Reading::wrong_form, "key not small");
    check(read("c 02 imin  00011170") == Reading::wrong_form, "two spaces");
    check(read("g 07 ") == Reading::wrong_form, "trailing space");
    check(read("s 07 0001") == Reading::wrong_form, "a stream takes no value");
    check(read("v 07 008000") == Reading::wrong_form, "level too long");
    check(read("g 7") == Reading::damaged, "n too short");
    check(read("p 08 004A") == Reading::wrong_form, "capital hex");
    check(read("r 09 00000002") == Reading::wrong_form, "field missing");
    check(read("k 00000001 00") == Reading::damaged, "k with too much");

    LineBuffer line;
    for (int i = 0; i < 81; i++)
        line.push('x');
    check(line.push('\n') && line.too_long(), "81 bytes are too many");
    line.push('h');
    check(line.push('\n') && !line.too_long() && line.length() == 1, "the next line starts afresh");
    check(line.push('\n') && line.empty(), "an empty line");
}

// Check value from the catalogue of parametrised CRC algorithms (CRC-16/IBM-3740).
void test_checksum() { check(crc16("123456789", 9) == 0x29b1, "CRC check value"); }

// First outputs of xorshift32 with shifts 13, 17, 5 from the seed 2463534242: G. Marsaglia, "Xorshift RNGs", Journal of
// Statistical Software 8(14), 2003, gives seed and shifts; the first output 723471715 is widely reprinted (from memory).
void test_interval() {
    const uint32_t first = 723471715;
    check(IntervalGenerator(2463534242u).draw(0, 0xfffffffe) == ((static_cast<uint64_t>(first) * 0xffffffffu) >> 32),
          "first draw of Marsaglia's seed");
    IntervalGenerator generator(1);
    bool lowest = false, highest = false;
    for (int i = 0; i < 1000; i++) {
        const uint32_t drawn = generator.draw(100, 109);
        check(drawn >= 100 && drawn <= 109, "a draw within its bounds");
        lowest = lowest || drawn == 100;
        highest = highest || drawn == 109;
    }
    check(lowest && highest, "both bounds are drawn");
}

// The table of docs/protocol.md.
void test_parameters() {
    Parameters parameters;
    check(parameters[Parameter::imin] == 70000 && parameters[Parameter::coun] == 0, "defaults");
    check(parameters.set("imin", 1999) == Setting::out_of_range, "imin below its range");
    check(parameters.set("imin", 2000) == Setting::done, "imin at its lowest");
    check(parameters.set("imax", 1999) == Setting::out_of_range, "imax below imin");
    check(parameters.set("emin", 1000001) == Setting::out_of_range, "emin above its range");
    check(parameters.set("thre", 0) == Setting::out_of_range, "thre below its range");
    check(parameters.set("nope", 1) == Setting::unknown_key, "unknown key");
    check(parameters.consistent(), "consistent");
    check(parameters.set("imin", 130000) == Setting::done && !parameters.consistent(), "imin raised above imax");
    check(parameters.set("imax", 130000) == Setting::done && parameters.consistent(), "and imax after it");
    check(parameters.set("firs", 0xfffffffe) == Setting::done && parameters.set("coun", 3) == Setting::done
              && !parameters.consistent(), "no number for the third trial");
    check(parameters.set("coun", 2) == Setting::done && parameters.consistent(), "numbers for two");
    check(parameters[Parameter::acti] == 0 && parameters[Parameter::alow] == 0 && parameters[Parameter::ahig] == 65535
              && parameters[Parameter::ramp] == 0 && parameters[Parameter::refm] == 0, "defaults of what is pressed");
    check(parameters.set("acti", 3) == Setting::out_of_range && parameters.set("refm", 2) == Setting::out_of_range
              && parameters.set("alow", 65536) == Setting::out_of_range && parameters.set("ahig", 65536) == Setting::out_of_range
              && parameters.set("ramp", 1000001) == Setting::out_of_range, "ranges of what is pressed");
    check(parameters.set("ramp", 20000) == Setting::done && parameters.consistent(), "a ramp that nothing climbs");
    check(parameters.set("acti", 2) == Setting::done && !parameters.consistent(), "a ramp as long as the hold");
    check(parameters.set("ramp", 19999) == Setting::done && parameters.consistent(), "a ramp within the hold");
}

// Against the straight line itself, in floating point.
void test_ramp(uint16_t from, uint16_t to, uint32_t duration) {
    constexpr uint16_t width = 1024;
    AxisRamp ramp;
    ramp.configure(from, to, duration, width);
    check(ramp.done(), "no ramp at first");
    ramp.begin();
    const int stairs = static_cast<int>(duration / width);
    for (int stair = 0; stair < stairs; stair++) {
        const double line = from + (static_cast<double>(to) - from) * (stair + 0.5) * width / duration;
        // Truncation of the rise adds up, by less than one part of 2^16 a stair.
        check(std::fabs(ramp.next() - line) <= 1.5 + stairs / 65536.0, "a stair on the line");
        check(!ramp.done(), "the end is still to come");
    }
    check(ramp.next() == to && ramp.done(), "the end");
}

void test_ramps() {
    test_ramp(0, 65535, 160000);
    test_ramp(65535, 0, 160000);
    test_ramp(8192, 57344, 16000000);
    test_ramp(40000, 40001, 7168);
    test_ramp(100, 60000, 1024);
    test_ramp(100, 60000, 1023);
    test_ramp(100, 60000, 0);
}

void test_batches() {
    ReadingBatches batches;
    batches.begin();
    check(!batches.ready() && batches.total() == 0, "nothing gathered at first");
    for (uint16_t i = 0; i < 8; i++)
        batches.add({1, i}, static_cast<uint16_t>(0x3f0 + i), i);
    check(batches.ready() && batches.oldest().first == 1 && batches.oldest().count == 6 && batches.oldest().at.count == 0, "six make a batch");
    const uint8_t *second = batches.oldest().readings[1];
    check(second[0] == 0x3f && second[1] == 0x10 && second[2] == 0x01, "x 3f1 and y 001 in three bytes");
    batches.drop_oldest();
    check(!batches.ready(), "two are no batch yet");
    batches.lose();
    check(batches.ready() && batches.oldest().first == 7 && batches.oldest().count == 2 && batches.oldest().lost == 0, "a lost one ends a batch");
    batches.drop_oldest();
    for (uint16_t i = 0; i < 40; i++)
        batches.add({2, i}, 1, 2);
    check(batches.oldest().first == 10 && batches.oldest().lost == 1, "and the next says so");
    check(batches.total() == 49 && batches.lost() == 17, "24 of 40 find room, 16 do not, and all are numbered");
    for (int i = 0; i < 4; i++)
        batches.drop_oldest();
    check(!batches.ready(), "four batches");
    batches.add({3, 0}, 1, 2);
    batches.finish();
    check(batches.ready() && batches.oldest().count == 1 && batches.oldest().first == 50 && batches.oldest().lost == 17, "the end makes a short one");
}

void test_store() {
    TrialStore store;
    store.begin(101);
    check(store.last() == 100 && !store.holds(100, 1) && !store.holds(101, 1), "nothing held at first");
    for (uint32_t i = 0; i < 30; i++) {
        const Trial trial = {{i, 0}, 0, 'r', 0, 1};
        store.add(trial);
        store.acknowledge(101 + i);
    }
    check(store.last() == 130 && store.unacknowledged() == 0, "30 trials, all acknowledged");
    check(store.holds(107, 24) && store.at(107).press.wraps == 6, "the last 24 are held");
    check(!store.holds(106, 1) && !store.holds(107, 25) && !store.holds(131, 1), "no more are");
    for (uint32_t i = 0; i < 24; i++)
        store.add(Trial());
    check(store.full(), "24 not acknowledged");
    store.acknowledge(9999);
    check(store.full(), "a number never made acknowledges nothing");
    store.acknowledge(131);
    check(store.unacknowledged() == 23, "cumulative");
}

}

int main(int argc, char **argv) {
    if (argc != 2) {
        std::fprintf(stderr, "usage: golden_test PROTOCOL_PAGE\n");
        return 2;
    }
    test_sent_frames(argv[1]);
    test_received_frames(argv[1]);
    test_bad_frames(argv[1]);
    test_forms();
    test_checksum();
    test_interval();
    test_parameters();
    test_store();
    test_batches();
    test_ramps();
    test_usb();
    return report_checks();
}

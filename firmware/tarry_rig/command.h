#pragma once
#include <stdint.h>

// A frame from the host, taken apart.
struct Command {
    char kind;
    uint8_t n;
    const char *key;   // c: four letters inside the received line
    uint32_t value;    // c: value; k: seq; p: id; r: from; v: level
    uint8_t count;     // r
};

enum class Reading : uint8_t {
    command,
    unknown_kind,      // sound and numbered, so it can be answered
    wrong_form,        // likewise
    damaged,           // nobody to answer
};

Reading read_command(const char *line, uint8_t length, Command &command);

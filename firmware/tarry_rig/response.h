#pragma once
#include <stdint.h>

// Where a response comes from; numbered as the parameter `resp`.
enum class Source : uint8_t { edge, light, echo };

struct Edges {
    uint8_t count;   // sticks at 255
    uint32_t first;   // the lower 32 bits of the tick count
    uint32_t last;
};

// Also forgets what was seen so far.
void response_configure(Source source, bool falling, uint8_t threshold);
// The line stands where a response would bring it. An echo has no level.
bool response_line_active();
Edges response_edges();
// For callers that have interrupts off: the edges so far, and a fresh count.
Edges response_take_edges();
// An echo byte has come; called in the receive interrupt.
void response_echo(uint32_t at);

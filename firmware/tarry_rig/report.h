#pragma once
#include "frame_writer.h"
#include "reading_batches.h"
#include "trial.h"

// The frames that the rig sends, field by field as docs/protocol.md lists them.

struct Greeting {
    uint8_t cause;
    uint32_t tick_hz;
    const char *board;
    const char *firmware;
};

struct Heartbeat {
    Tick now;
    uint32_t last;
    char state;
    uint16_t unacknowledged;
    uint16_t bad_frames;
    uint16_t lost_bytes;
};

FrameWriter greeting_frame(uint16_t boot, const Greeting &greeting);
FrameWriter trial_frame(uint16_t boot, uint32_t sequence, const Trial &trial);
FrameWriter heartbeat_frame(uint16_t boot, const Heartbeat &heartbeat);
FrameWriter ping_frame(uint16_t boot, uint8_t n, uint16_t id, const Tick &tick);
FrameWriter done_frame(uint16_t boot, uint8_t n, char kind);
FrameWriter refusal_frame(uint16_t boot, uint8_t n, char kind, const char *reason);
FrameWriter readings_frame(uint16_t boot, const ReadingBatch &batch);
FrameWriter stream_over_frame(uint16_t boot, uint32_t total, uint16_t lost);
FrameWriter level_frame(uint16_t boot, uint8_t n, uint16_t level, const Tick &tick);
FrameWriter run_over_frame(uint16_t boot, const RunCounts &counts, const char *reason);

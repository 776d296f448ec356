#include "report.h"

namespace {

constexpr uint8_t protocol_version = 1;
constexpr uint8_t tick_bits = 48;

FrameWriter begin(char kind, uint16_t boot) {
    FrameWriter frame(kind);
    frame.hex(boot, 4);
    return frame;
}

}

FrameWriter greeting_frame(uint16_t boot, const Greeting &greeting) {
    FrameWriter frame = begin('B', boot);
    frame.hex(protocol_version, 2).hex(greeting.cause, 2).hex(greeting.tick_hz, 8).hex(tick_bits, 2)
        .word(greeting.board).word(greeting.firmware).finish();
    return frame;
}

FrameWriter trial_frame(uint16_t boot, uint32_t sequence, const Trial &trial) {
    FrameWriter frame = begin('T', boot);
    frame.hex(sequence, 8).tick(trial.press);
    if (trial.outcome == 'm')
        frame.letter('-');
    else
        frame.hex(trial.latency, 8);
    frame.letter(trial.outcome).hex(trial.flags, 2).hex(trial.edges, 2).finish();
    return frame;
}

FrameWriter heartbeat_frame(uint16_t boot, const Heartbeat &heartbeat) {
    FrameWriter frame = begin('P', boot);
    frame.tick(heartbeat.now).hex(heartbeat.last, 8).letter(heartbeat.state).hex(heartbeat.unacknowledged, 4)
        .hex(heartbeat.bad_frames, 4).hex(heartbeat.lost_bytes, 4).finish();
    return frame;
}

FrameWriter ping_frame(uint16_t boot, uint8_t n, uint16_t id, const Tick &tick) {
    FrameWriter frame = begin('K', boot);
    frame.hex(n, 2).hex(id, 4).tick(tick).finish();
    return frame;
}

FrameWriter done_frame(uint16_t boot, uint8_t n, char kind) {
    FrameWriter frame = begin('A', boot);
    frame.hex(n, 2).letter(kind).finish();
    return frame;
}

FrameWriter refusal_frame(uint16_t boot, uint8_t n, char kind, const char *reason) {
    FrameWriter frame = begin('N', boot);
    frame.hex(n, 2).letter(kind).word(reason).finish();
    return frame;
}

FrameWriter readings_frame(uint16_t boot, const ReadingBatch &batch) {
    FrameWriter frame = begin('S', boot);
    frame.hex(batch.first, 8).tick(batch.at).hex(batch.lost, 4).bytes(batch.readings[0], static_cast<uint8_t>(3 * batch.count)).finish();
    return frame;
}

FrameWriter stream_over_frame(uint16_t boot, uint32_t total, uint16_t lost) {
    FrameWriter frame = begin('E', boot);
    frame.hex(total, 8).hex(lost, 4).finish();
    return frame;
}

FrameWriter level_frame(uint16_t boot, uint8_t n, uint16_t level, const Tick &tick) {
    FrameWriter frame = begin('V', boot);
    frame.hex(n, 2).hex(level, 4).tick(tick).finish();
    return frame;
}

FrameWriter run_over_frame(uint16_t boot, const RunCounts &counts, const char *reason) {
    FrameWriter frame = begin('D', boot);
    frame.hex(counts.total(), 8).hex(counts.responses, 8).hex(counts.missed, 8).hex(counts.early, 8)
        .word(reason).finish();
    return frame;
}

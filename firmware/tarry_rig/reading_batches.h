#pragma once
#include "tick.h"

// Readings in a row, as one frame tells them.
struct ReadingBatch {
    static constexpr uint8_t capacity = 6;

    uint32_t first;    // number of the first reading
    Tick at;           // when it was due
    uint16_t lost;     // readings lost since the stream began
    uint8_t count;
    uint8_t readings[capacity][3];   // x and y, 12 bits each
};

// Batches between the converter's interrupt and the loop. A reading that finds no room is numbered and lost, and ends the
// batch before it, since a batch has no gaps.
class ReadingBatches {
public:
    static constexpr uint8_t capacity = 4;

    void begin();
    // In the interrupt.
    void add(const Tick &due, uint16_t x, uint16_t y);
    void lose();
    // No more comes: what has been gathered is ready.
    void finish();

    // In the loop. A batch that is ready stays as it is until it is dropped.
    bool ready() const { return head_ != tail_; }
    const ReadingBatch &oldest() const { return batches_[tail_ % capacity]; }
    void drop_oldest() { tail_ = static_cast<uint8_t>(tail_ + 1); }
    uint32_t total() const { return number_; }
    uint16_t lost() const { return lost_; }

private:
    ReadingBatch &newest() { return batches_[head_ % capacity]; }
    void close();

    ReadingBatch batches_[capacity];
    volatile uint8_t head_;
    volatile uint8_t tail_;
    uint32_t number_;
    uint16_t lost_;
    bool open_;
};

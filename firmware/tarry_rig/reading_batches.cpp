#include "reading_batches.h"

void ReadingBatches::begin() {
    head_ = 0;
    tail_ = 0;
    number_ = 0;
    lost_ = 0;
    open_ = false;
}

void ReadingBatches::add(const Tick &due, uint16_t x, uint16_t y) {
    if (!open_ && static_cast<uint8_t>(head_ - tail_) == capacity) {
        lose();
        return;
    }
    ReadingBatch &batch = newest();
    number_++;
    if (!open_) {
        open_ = true;
        batch.first = number_;
        batch.at = due;
        batch.lost = lost_;
        batch.count = 0;
    }
    uint8_t *reading = batch.readings[batch.count++];
    reading[0] = static_cast<uint8_t>(x >> 4);
    reading[1] = static_cast<uint8_t>((x << 4) | (y >> 8));
    reading[2] = static_cast<uint8_t>(y);
    if (batch.count == ReadingBatch::capacity)
        close();
}

void ReadingBatches::lose() {
    number_++;
    if (lost_ != 0xffff)
        lost_++;
    close();
}

void ReadingBatches::finish() { close(); }

void ReadingBatches::close() {
    if (open_)
        head_ = static_cast<uint8_t>(head_ + 1);
    open_ = false;
}

#pragma once
#include "random_source.h"
#include <string>

// What a bad cable does to whole lines.
class LineFaults {
public:
    LineFaults(double garble_share, double drop_share, std::uint64_t seed)
        : garble_share_(garble_share), drop_share_(drop_share), random_(seed) {}

    void damage(std::string &line) {
        if (random_.chance(garble_share_)) {
            char &byte = line[random_.below(line.size())];
            byte = static_cast<char>(byte ^ (1 << random_.below(8)));
            garbled_++;
        }
        if (random_.chance(drop_share_)) {
            line.erase(random_.below(line.size()), 1);
            dropped_++;
        }
    }

    std::uint64_t garbled() const { return garbled_; }
    std::uint64_t dropped() const { return dropped_; }

private:
    double garble_share_;
    double drop_share_;
    RandomSource random_;
    std::uint64_t garbled_ = 0;
    std::uint64_t dropped_ = 0;
};

#include "bench.h"
#include <csignal>
#include <cstdio>
#include <exception>

namespace {

volatile sig_atomic_t stop;

void request_stop(int) { stop = 1; }

}

int main(int argc, char **argv) {
    const Options options = parse_options(argc, argv);
    const Board *board = find_board(options.board);
    if (!board) {
        std::fprintf(stderr, "tarry-emulator: no board `%s`; see --help\n", options.board.c_str());
        return 2;
    }
    struct sigaction action = {};
    action.sa_handler = request_stop;
    sigaction(SIGTERM, &action, nullptr);
    sigaction(SIGINT, &action, nullptr);
    signal(SIGPIPE, SIG_IGN);
    try {
        Bench bench(options, *board, stop);
        bench.run();
        bench.print_summary();
    } catch (const std::exception &failure) {
        std::fprintf(stderr, "tarry-emulator: %s\n", failure.what());
        return 3;
    }
    return 0;
}

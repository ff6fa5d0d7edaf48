#include <unistd.h>

#include <csignal>
#include <iostream>

#include "mobile/commands/commands.h"
#ifdef KNEERAIL_SCREENS
#include "mobile/photograph/drawn_photograph.h"
#include "mobile/screens/start.h"
#endif

namespace {

// A signal handler can reach nothing but this.
volatile std::sig_atomic_t interrupted = 0;

void on_interrupt(int) {
  interrupted = 1;
  std::signal(SIGINT, SIG_DFL);  // a second Ctrl-C ends the program at once
}

}  // namespace

int main(int argc, char** argv) {
  kneerail::commands::Console console{std::cout, std::cerr, isatty(STDERR_FILENO) == 1, [] {
                                        static const bool watching =
                                            std::signal(SIGINT, on_interrupt) != SIG_ERR;
                                        return watching && interrupted != 0;
                                      }};
#ifdef KNEERAIL_SCREENS
  return kneerail::commands::run(argc, argv, console, kneerail::open_screens,
                                 kneerail::photograph::drawn);
#else
  return kneerail::commands::run(argc, argv, console);
#endif
}

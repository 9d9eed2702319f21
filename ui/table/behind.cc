#include "ui/table/behind.h"

#include <sys/resource.h>
#include <unistd.h>

namespace crosstick::table {
namespace {

constexpr int kBehind = 10;  ///< of 19 steps of niceness: a tenth of the window's share while both have work

}  // namespace

void stepBehind() {
    // On Linux niceness is a thread's own; Qt's thread priorities change nothing there for an ordinary user.
    (void)setpriority(PRIO_PROCESS, static_cast<id_t>(gettid()), kBehind);
}

}  // namespace crosstick::table

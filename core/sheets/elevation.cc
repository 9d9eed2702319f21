#include "core/sheets/elevation.h"

#include "symbols/engrave.h"

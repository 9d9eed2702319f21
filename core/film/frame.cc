#include "core/film/frame.h"

#include "core/drawing/text_ruler.h"

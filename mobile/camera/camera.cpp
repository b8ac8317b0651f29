// The compiled side of the interface: what Qt generates for its signals.
#include "camera/camera.hpp"

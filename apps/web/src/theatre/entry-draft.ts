/** Where a pin really went, as it is being typed: a distance from a landmark, direction, lean, walls. */
import { type InTheatre, type Landmark, type PlacedPin, placeFrom } from '@bonewright/construct';
import { InputError } from '@bonewright/fault';
import { z } from 'zod';

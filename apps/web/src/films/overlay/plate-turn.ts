/** How the film below an overlay is turned: words on it stand upright, hands move it the way they go. */
import { createContext } from 'react';
import { STRAIGHT, type Turn } from '../plate/turn.ts';

export const PlateTurn = createContext<Turn>(STRAIGHT);

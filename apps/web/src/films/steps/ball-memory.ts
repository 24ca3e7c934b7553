/** The practice has one ball: its size is offered again on the next film. */
export const BALL_MEMORY = 'ball-diameter-mm';

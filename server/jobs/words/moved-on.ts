/** Said where somebody wrote on a state of the job that is no longer its last. */
export const movedOn =
  'This job has moved on since you saw it. Here it is as it is now; send yours again if it still holds.'

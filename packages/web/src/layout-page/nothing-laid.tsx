/** Stands where the cost would: without a walkway there is none. */
export const NothingLaid = () => (
  <p className="quiet" data-nothing-laid>
    Nothing is laid: there is no cost and no budget yet.
  </p>
);

package sealspan.event;

/** A part or kit that was fitted. */
public record PartFitted(
    @Means("what it is, such as disc, spring, kit") String kind,
    @Means("kit or part number") String kitNumber,
    @Means("maker") String maker,
    @Means("material of the seal") String material,
    @Means("lot") String lot,
    @Means("how many") Integer quantity,
    @Means("price of one") Money unitPrice,
    @Means("supplier id") String supplierId) {}
